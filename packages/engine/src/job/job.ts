import type { JobDocument } from './schema.ts';

/** A job in SI with the length of its seam known. */
export type Job = Omit<JobDocument, 'seam'> & {
  readonly seam: Omit<JobDocument['seam'], 'length'> & {
    /** Length of the seam; for a girth without one, pi times its diameter [m]. */
    readonly length: number;
  };
};

/** The electrode entry of a job's kit. */
export type KitElectrode = Job['kit']['electrodes'][number];

/** Works out what follows from the document: the length of a girth. */
export function jobOf(document: JobDocument): Job {
  const { seam } = document;
  const girth = seam.path === 'girth' && seam.diameter !== undefined ? Math.PI * seam.diameter : Number.NaN;
  return { ...document, seam: { ...seam, length: seam.length ?? girth } };
}
