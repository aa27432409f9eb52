import { describe, expect, it } from 'vitest';
import { dataFolder } from './data-folder.ts';

const linux = { environment: {}, platform: 'linux', home: '/home/kim' };

describe('dataFolder', () => {
  it('is what FURROW_DATA says, made absolute', () => {
    expect(dataFolder({ ...linux, environment: { FURROW_DATA: '/srv/furrow' } })).toBe('/srv/furrow');
    expect(dataFolder({ ...linux, environment: { FURROW_DATA: 'here' } })).toBe(`${process.cwd()}/here`);
  });

  it('follows each platform', () => {
    expect(dataFolder(linux)).toBe('/home/kim/.local/share/furrow');
    expect(dataFolder({ ...linux, environment: { XDG_DATA_HOME: '/data' } })).toBe('/data/furrow');
    expect(dataFolder({ ...linux, platform: 'darwin', home: '/Users/kim' })).toBe(
      '/Users/kim/Library/Application Support/Furrow',
    );
    expect(dataFolder({ environment: {}, platform: 'win32', home: 'C:\\Users\\kim' })).toBe(
      'C:\\Users\\kim\\AppData\\Local\\Furrow',
    );
    expect(
      dataFolder({ environment: { LOCALAPPDATA: 'D:\\data' }, platform: 'win32', home: 'C:\\Users\\kim' }),
    ).toBe('D:\\data\\Furrow');
  });

  it('takes no relative XDG_DATA_HOME and no empty setting', () => {
    expect(dataFolder({ ...linux, environment: { XDG_DATA_HOME: 'data', FURROW_DATA: '' } })).toBe(
      '/home/kim/.local/share/furrow',
    );
  });
});
