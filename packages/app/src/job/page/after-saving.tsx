import { useEffect, useRef } from 'preact/hooks';
import { useBench, useBenchState } from '../state/index.ts';
import { takeFromShop } from './take-from-shop.ts';

/**
 * A demo job that is saved is a job of the shop's own from then on: the demo's kit and its invented history fall away at
 * once, so that the bench shows what its papers are made of.
 */
export function AfterSaving(): null {
  const bench = useBench();
  const id = useBenchState((state) => state.saved?.id);
  const first = useRef(id);
  useEffect(() => {
    if (id === first.current) return undefined;
    first.current = id;
    return takeFromShop(bench);
  }, [bench, id]);
  return null;
}
