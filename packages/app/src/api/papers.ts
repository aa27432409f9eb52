import {
  API_PATHS,
  type FilledPaper,
  fillPath,
  type PaperChoices,
  type PaperList,
  type Printed,
  paperListSchema,
} from '@furrow/contract';
import { z } from 'zod';
import type { Reply } from './failure.ts';
import { request, requestFile } from './request.ts';

/** Whose papers: those of a saved job, or of a demo job. */
export type PapersOf = { readonly id: string } | { readonly name: string };

/** The papers of a job, and which were handed out. */
export function fetchPapers(of: PapersOf, choices: PaperChoices): Promise<Reply<PaperList>> {
  const path = 'id' in of ? fillPath(API_PATHS.jobPapers, of) : fillPath(API_PATHS.examplePapers, of);
  return request('GET', `${path}${query(choices)}`, paperListSchema);
}

/** Address of a paper or a drawing as a file. */
export function paperPath(of: PapersOf, file: string, choices: PaperChoices): string {
  const path =
    'id' in of
      ? fillPath(API_PATHS.jobPaper, { ...of, file })
      : fillPath(API_PATHS.examplePaper, { ...of, file });
  return `${path}${query(choices)}`;
}

/** Address of a paper as pages to look at and print. */
export function paperPage(of: PapersOf, page: string, choices: PaperChoices): string {
  const path =
    'id' in of
      ? fillPath(API_PATHS.jobPaperPage, { ...of, file: page })
      : fillPath(API_PATHS.examplePaperPage, { ...of, file: page });
  return `${path}${query(choices)}`;
}

/** A paper filled in from a readings file, as a PDF. */
export function fetchFilled(
  of: PapersOf,
  file: string,
  choices: PaperChoices,
  filled: FilledPaper,
): Promise<Reply<Blob>> {
  return requestFile(paperPath(of, file, choices), filled);
}

/** Says that a paper of a saved job was handed out. */
export function tellPrinted(id: string, printed: Printed): Promise<Reply<unknown>> {
  return request('POST', fillPath(API_PATHS.jobPrinted, { id }), z.unknown(), printed);
}

function query({ units, paper, kit, history }: PaperChoices): string {
  return `?${new URLSearchParams({ units, paper, kit, history })}`;
}
