import { describe, expect, it } from 'vitest';
import { errorPage } from './error-page.ts';

describe('errorPage', () => {
  it('shows what was read without letting it become markup', () => {
    const page = errorPage({
      code: 'JOB_NOT_READABLE',
      message: 'The title is <script>alert(1)</script>.',
      issues: [{ code: 'JOB_FIELD_VALUE', message: '“" onload="x” & more', path: 'title' }],
    });
    expect(page).not.toContain('<script');
    expect(page).toContain('&#60;script&#62;');
    expect(page).toContain('&#34; onload=&#34;x” &#38; more');
  });
});
