/** What is annotated of one file. */
export interface DialectAnnotation {
  readonly file: string;
  readonly delimiter: string;
  /** Empty where none is annotated. */
  readonly quote: string;
}

const CHARACTERS: Readonly<Record<string, string>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  tabulation: '\t',
  space: ' ',
  pipe: '|',
  vslash: '|',
  verticalbar: '|',
  bar: '|',
  colon: ':',
  caret: '^',
  tilde: '~',
  hash: '#',
  numbersign: '#',
  ampersand: '&',
  asterisk: '*',
  star: '*',
  at: '@',
  dollar: '$',
  percent: '%',
  equal: '=',
  slash: '/',
  backslash: '\\',
  dash: '-',
  hyphen: '-',
  underscore: '_',
  section: '§',
  exclamation: '!',
  doublequote: '"',
  singlequote: "'",
  apostrophe: "'",
  none: '',
};

function characterOf(written: string): string {
  const word = written
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/gu, '');
  return written.length === 1 ? written : (CHARACTERS[word] ?? written.trim());
}

/** Reads annotations: remarks begin with #, the first other line names the fields. */
export function readAnnotations(text: string): readonly DialectAnnotation[] {
  const lines = text.split(/\r?\n/u).filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const fields = lines[0]?.split('|') ?? [];
  const at = (name: string): number => fields.findIndex((field) => field.trim().toLowerCase() === name);
  const [file, delimiter, quote] = [at('file_name'), at('fields_delimiter'), at('quotechar')];
  if (file < 0 || delimiter < 0)
    throw new Error('The annotations do not name file_name and fields_delimiter.');
  return lines.slice(1).map((line) => {
    const cells = line.split('|');
    return {
      file: cells[file]!.trim(),
      delimiter: characterOf(cells[delimiter] ?? ''),
      quote: quote < 0 ? '' : characterOf(cells[quote] ?? ''),
    };
  });
}
