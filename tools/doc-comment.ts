/** One tag of a doc comment: its name without the @ and everything up to the next tag. */
export interface DocTag {
  readonly name: string;
  readonly text: string;
}

/** A doc comment taken apart: what stands before the first tag, and the tags in their order. */
export interface DocComment {
  readonly summary: string;
  readonly tags: readonly DocTag[];
}

/** Takes apart a comment as it stands in the source, stars included; line breaks inside a part are kept. */
export function readDocComment(source: string): DocComment {
  const lines = source
    .replace(/^\s*\/\*\*/, '')
    .replace(/\*\/\s*$/, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd());
  const parts: { name: string; lines: string[] }[] = [{ name: '', lines: [] }];
  for (const line of lines) {
    const tag = /^\s*@([a-zA-Z]+)\s*(.*)$/.exec(line);
    if (tag) parts.push({ name: tag[1]!, lines: [tag[2]!] });
    else parts.at(-1)!.lines.push(line);
  }
  const [summary, ...tags] = parts.map(({ name, lines: own }) => ({ name, text: own.join('\n').trim() }));
  return { summary: summary!.text, tags };
}
