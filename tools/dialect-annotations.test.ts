import { expect, test } from 'vitest';
import { readAnnotations } from './dialect-annotations.ts';

test('annotations are read by the names of their fields', () => {
  const text =
    '#remark\nfile_name|encoding|fields_delimiter|quotechar\na.csv|utf8|vslash|doublequote\nb.csv|utf8|;|\n';
  expect(readAnnotations(text)).toEqual([
    { file: 'a.csv', delimiter: '|', quote: '"' },
    { file: 'b.csv', delimiter: ';', quote: '' },
  ]);
  expect(() => readAnnotations('a|b\n1|2\n')).toThrow('file_name');
});
