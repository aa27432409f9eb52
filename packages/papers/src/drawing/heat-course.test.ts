import { describe, expect, test } from 'vitest';
import { sampleHeat } from '../sample-heat.test-data.ts';
import { heatCourse } from './heat-course.ts';

describe('heat through time', () => {
  const { field } = sampleHeat();
  const course = heatCourse(field);

  test('follows back face and surface from the plate’s own temperature on', () => {
    expect(course.time_s).toEqual(field.frames.map(({ time }) => time));
    expect(course.back_degC[0]).toBeCloseTo(20, 0);
    expect(course.beside_degC[0]).toBeCloseTo(20, 0);
    expect(Math.max(...course.back_degC)).toBeGreaterThan(100);
  });

  test('takes the hotter side where heat lies to one side', () => {
    const columns = field.across.length;
    const lopsided = field.frames.map((frame) => ({
      ...frame,
      temperature: frame.temperature.map((value, cell) =>
        cell % columns > columns / 2 ? value + 50 : value,
      ),
    }));
    const other = heatCourse({ ...field, frames: lopsided });
    expect(other.beside_degC[0]! - course.beside_degC[0]!).toBeCloseTo(50, 3);
  });
});
