import {
  API_PATHS,
  type HistoryEntry,
  historyEntrySchema,
  type ShopFigures,
  shopFiguresSchema,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { request } from './request.ts';

const entries = z.array(historyEntrySchema);

/** The shops side by side. */
export const fetchShopFigures = (): Promise<Reply<ShopFigures[]>> =>
  request('GET', API_PATHS.companyShops, z.array(shopFiguresSchema));

/** Who changed what, newest first: of the shop that is looked at, or of people, shops and machines. */
export function fetchHistory(
  of: 'shop' | 'company',
  before: number | undefined,
): Promise<Reply<HistoryEntry[]>> {
  const path = of === 'shop' ? API_PATHS.history : API_PATHS.companyHistory;
  return request('GET', before === undefined ? path : `${path}?before=${before}`, entries);
}
