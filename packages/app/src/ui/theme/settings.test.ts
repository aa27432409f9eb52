import { describe, expect, it } from 'vitest';
import { MemoryStorage } from '../../testing/index.ts';
import { createSettings, keepSettings } from './settings.ts';

describe('settings', () => {
  it('are metric and as the system has it until a person chooses', () => {
    expect(createSettings(new MemoryStorage()).get()).toEqual({ units: 'metric', theme: 'system' });
  });

  it('are kept in the browser and put on the page', () => {
    const memory = new MemoryStorage();
    const page = { dataset: {} as Record<string, string> };
    const settings = createSettings(memory);
    keepSettings(settings, memory, page as unknown as HTMLElement);
    settings.set({ units: 'inch', theme: 'dark' });
    expect(page.dataset['theme']).toBe('dark');
    expect(createSettings(memory).get()).toEqual({ units: 'inch', theme: 'dark' });
  });

  it('fall back where the browser kept something unknown', () => {
    const memory = new MemoryStorage();
    memory.setItem('furrow.theme', 'sepia');
    memory.setItem('furrow.units', 'cubits');
    expect(createSettings(memory).get()).toEqual({ units: 'metric', theme: 'system' });
  });
});
