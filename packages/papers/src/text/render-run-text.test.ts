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
    expect(text).toMatch(/0:10\.0 +0\.\d{3} m to 0\.\d{3} m, pass 1 +Arc out/u);
    expect(text).toContain('name the job that was run');
  });

  test('gives inch units throughout', () => {
    expect(renderRunText(report, 'Drum seam', 'inch')).not.toMatch(/\d (mm|m|bar)\b/u);
  });

  test('says what the log does not tell, and never 0 for it', () => {
    expect(text).toMatch(/Electrode used +not told/u);
  });

  test('tells each sum under its own name', () => {
    expect(text).toMatch(/Arc time +21(\.0+)? s/u);
    expect(text).toMatch(/Arc out +1\.0+ s/u);
  });

  test('tells what may be behind an event, and a recut with both its ends', () => {
    const cause = { cause: 'stub', title: 'the electrode was used up', probability: 0.42, remedy: 'Look.' };
    const recut = {
      ...{ from_mm: 90, to_mm: 210, current_A: 450, arc_voltage_V: 40, travel_mm_per_min: 600, dwell_s: 1 },
      ...{ passes: 3, passes_before_gauge: 2 },
      gauge: {
        ...{ after_layer: 4, stations: 1, station_positions_mm: [150], reading_sd_mm: 0.3 },
        ...{ table: [], stations_choice: [] },
      },
      depth_mm: { p05: 1, p50: 2, p95: 3 },
      ...{ ramp_mm: 10, chances: { reached: 0.859, not_too_deep: 0.7, ligament_kept: 1 } },
    };
    const [event] = report.events.filter(({ kind }) => kind === 'arc_out');
    const told: RunReport = {
      ...report,
      events: [{ ...event!, causes: [cause], next_check: null }],
      stretches: [
        { kind: 'shallow', pass: 1, from_mm: 100, to_mm: 200, depth_mm: 2, says: event!.says, recut },
      ],
    };
    const words = renderRunText(told, 'Drum seam', 'metric').replace(/\s+/gu, ' ');
    expect(words).toContain('Arc out: most likely the electrode was used up (42 %). Look.');
    expect(words).toContain(
      '0.090 m to 0.210 m at 600 mm/min, 450 A, 40.0 V, dwell 1.0 s; 2 of 3 passes so, gauge, the rest by its table; deep enough 85 %, not too deep 70 %',
    );
    expect(words).toContain('0.100 m to 0.200 m: mean read at 0.150 m in the recut, and what to do');
  });

  test('stays within a hundred columns and lets no text of the job command the terminal', () => {
    const written = renderRunText(report, '\u001b[31mred '.repeat(30), 'metric');
    expect(Math.max(...written.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(100);
    expect(written).not.toMatch(/(?!\n)[\p{Cc}‪-‮]/u);
  });
});
