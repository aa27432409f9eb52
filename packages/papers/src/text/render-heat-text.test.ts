import { describe, expect, test } from 'vitest';
import { sampleHeat } from '../sample-heat.test-data.ts';
import { renderHeatText } from './render-heat-text.ts';

const { report } = sampleHeat();

describe('heat as text', () => {
  const text = renderHeatText(report, 'Drum seam', 'metric');

  test('tells passes, field, cooling, hardness, preheat, skin, margins, balance and what it rests on', () => {
    for (const part of [
      'Section 3.00 m from the start of the seam; refined',
      'keeps 20 to 50 % of the arc energy',
      '0.62 to 1.54 kJ/mm',
      'Width past Ac1 (718 °C), both sides',
      'does not apply',
      'Hardness at the groove’s surface',
      '250 to 430 HV',
      /EN 1011-2, method B +85 °C +inside/u,
      /Hydrogen control +cannot be used +outside/u,
      'For gouging: 85 °C [as for the re-weld (common practice)]',
      'Grind 1.5 mm off all round',
      'Back face    179 °C  ≤ 200 °C  tight',
      'Energy: 2.16 kJ/mm given',
      'Heat kept: 20 to 50 % of the arc energy stays in the plate [a handbook (memory)]',
      '! The plate stays hot',
      'the software never signs',
    ]) {
      expect(text).toMatch(part);
    }
  });

  test('tells of the ends of the seam where they were followed', () => {
    expect(text).not.toContain('the end of the seam');
    const ends = {
      window_mm: 90,
      whole_seam: false,
      back_face_degC: 190,
      section_back_face_degC: 148,
      t85_s: { least: 3.1, most: 6.2 },
      section_t85_s: 4.2,
      width_past_ac1_mm: 7.1,
      section_width_past_ac1_mm: 6.2,
      note: 'Hotter where the torch stops.',
    };
    const written = renderHeatText({ ...report, ends }, 'Drum seam', 'metric');
    for (const part of ['The end of the seam, over 90.0 mm', '190 °C', '3.1 to 6.2 s', 'Hotter where']) {
      expect(written).toContain(part);
    }
  });

  test('gives inch units throughout', () => {
    const inch = renderHeatText(report, 'Drum seam', 'inch');
    expect(inch).toContain('15.7 to 39.1 kJ/in');
    expect(inch).toContain('355 °F');
    expect(inch).toContain('22.3 lb');
    expect(inch).not.toMatch(/\d (mm|°C|kJ\/mm|kg)\b/u);
  });

  test('stays within a hundred columns and lets no text of the job command the terminal', () => {
    const crowded = { ...report, cautions: ['word '.repeat(60), '\u001b[2J\u202eback'] };
    const written = renderHeatText(crowded, '\u001b[31mred '.repeat(30), 'metric');
    expect(Math.max(...written.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(100);
    expect(written).not.toMatch(/(?!\n)[\p{Cc}\u202a-\u202e]/u);
  });

  test('says why there is no hardness and no preheat, and that a quick look is one', () => {
    const bare = {
      ...report,
      quality: 'quick' as const,
      grid_error_percent: null,
      transformation: null,
      width_past_ac1_mm: null,
      width_past_ac3_mm: null,
      depth_past_ac1_mm: null,
      t85_s: null,
      hardness: null,
      hardness_missing: 'copper does not harden',
      preheat: null,
      preheat_missing: 'no such rule for copper',
    };
    const written = renderHeatText(bare, 'x', 'metric');
    expect(written).toContain('a quick look');
    expect(written).toContain('Hardness: copper does not harden');
    expect(written).toContain('Preheat: no such rule for copper');
    expect(written).not.toContain('Ac1');
  });
});
