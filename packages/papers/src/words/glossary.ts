/** A word of the bench that not every shop uses, in one sentence. */
export interface GlossaryEntry {
  readonly term: string;
  readonly meaning: string;
}

/** The words that a newcomer asks for, in the order of the alphabet. */
export const GLOSSARY: readonly GlossaryEntry[] = [
  {
    term: 'Assurance',
    meaning: 'the chance, asked for in the job, that the whole groove comes out as wanted at first.',
  },
  {
    term: 'Blind',
    meaning: 'cut by the figures alone, without a trial and without gauging between.',
  },
  {
    term: 'Dwell',
    meaning: 'time that the burning arc stands at the start before the carriage moves.',
  },
  { term: 'Layer', meaning: 'all passes side by side at one depth; the next layer goes deeper.' },
  {
    term: 'Ligament',
    meaning: 'the plate left under the groove: its thickness less the depth.',
  },
  {
    term: 'Loss window',
    meaning: 'how long the arc may be out before metal is left standing that must be cut again.',
  },
  {
    term: 'Margin',
    meaning: 'what is asked for beside what there is: holds, tight or fails, with the source of the limit.',
  },
  {
    term: 'Pocket',
    meaning: 'a short groove over a defect, with the floor ramped at both ends.',
  },
  {
    term: 'Run-in',
    meaning: 'a first stretch of the seam itself, cut shallow and gauged before the rest.',
  },
  {
    term: 'Seam strip',
    meaning: 'the drawing of the seam unrolled, its length from left to right.',
  },
  {
    term: 'Station',
    meaning:
      'a place along the seam where the depth is gauged; the control station is where the operator stands.',
  },
  { term: 'Stick-out', meaning: 'length of electrode from the jaws of the torch to the arc.' },
  { term: 'Track', meaning: 'one of several passes side by side that make a groove wider than one pass.' },
  {
    term: 'Trial',
    meaning: 'a short cut on scrap or a run-on plate, gauged to set the travel on the seam.',
  },
  { term: 'Wash', meaning: 'a wide, shallow cut that takes a layer off a surface.' },
];
