import { answerRun, type RunReport } from '@furrow/engine';
import { describe, expect, test } from 'vitest';
import { renderRunText } from './render-run-text.ts';

/** A log of 20 s with the arc out for a second, from its bytes. */
function reviewed(): RunReport {
  const lines = ['time [s];voltage [V];current [A];travel [mm/min]'];
  for (let n = 0; n < 260; n += 1) {
    const t = n / 10;
    const burns = t >= 2 && t < 24 && !(t >= 10 && t < 11);
    const wobble = Math.sin(n);
    lines.push(
      `${t};${burns ? 42 + wobble : 75};${burns ? 800 + 5 * wobble : 0};${burns || t < 24 ? 900 : 0}`,
    );
  }
  const review = answerRun({ version: '0' });
  review.push(new TextEncoder().encode(`${lines.join('\n')}\n`));
  const read = review.end('00');
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return read.value.report;
}

describe('the review of a log as text', () => {
  const report = reviewed();
  const text = renderRunText(report, 'Drum seam', 'metric');

  test('begins with what was read and the verdict, and lists events with time and place', () => {
    const lines = text.split('\n');
    expect(lines[0]).toBe('Drum seam');
    expect(lines[1]).toBe('260 rows read; every line of the table gave one.');
    expect(text).toContain('1 pass run, the arc burned 21 s, and was out 1.0 s');
    expect(text).toMatch(/0:10\.0 +0\.\d{3} m to 0\.\d{3} m +Arc out/u);
    expect(text).toContain('name the job that was run');
  });

  test('gives inch units throughout', () => {
    expect(renderRunText(report, 'Drum seam', 'inch')).not.toMatch(/\d (mm|m|bar)\b/u);
  });

  test('says what the log does not tell, and never 0 for it', () => {
    expect(text).toMatch(/Electrode used +not told/u);
  });

  test('stays within a hundred columns and lets no text of the job command the terminal', () => {
    const written = renderRunText(report, '\u001b[31mred '.repeat(30), 'metric');
    expect(Math.max(...written.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(100);
    expect(written).not.toMatch(/(?!\n)[\p{Cc}‪-‮]/u);
  });
});
