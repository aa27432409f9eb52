import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { NO_BROWSER, useStage } from './stage.ts';

describe.skipIf(NO_BROWSER)('content security policy', () => {
  const stage = useStage();

  it('covers every page, and no page carries script or style of its own', async () => {
    const { page, url } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.save(1);
    const saved = new URL(page.url()).pathname;
    for (const path of ['/', '/jobs', saved, `${saved}/card`]) {
      const reply = await page.request.get(url + path, { headers: { accept: 'text/html' } });
      const policy = reply.headers()['content-security-policy'] ?? '';
      expect(policy, path).toMatch(/default-src 'none'/u);
      expect(policy, path).toMatch(/script-src 'self' 'wasm-unsafe-eval'(;|$)/u);
      expect(policy, path).toMatch(/style-src 'self'(;|$)/u);
      const html = await reply.text();
      expect(html, path).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son\w+=/iu);
    }
  });

  it('keeps a script out that got into the page', async () => {
    const { page } = await stage.visit({ console: /Content Security Policy/u });
    await new BenchPage(page).open();
    const ran = await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "taken over"';
      document.body.append(script);
      return document.title;
    });
    expect(ran).not.toBe('taken over');
  });

  it('lets the heat kernel be compiled, but no text be run as script', async () => {
    const { page } = await stage.visit({ console: /Content Security Policy|unsafe-eval/u });
    await new BenchPage(page).open();
    const allowed = await page.evaluate(async () => {
      // what the browser is told to evaluate may do more than a page may, until it gives way
      await new Promise((resolve) => setTimeout(resolve, 0));
      // the shortest module there is: its mark and version
      const empty = Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0);
      const tries = (run: () => unknown): boolean => {
        try {
          run();
          return true;
        } catch {
          return false;
        }
      };
      return {
        kernel: tries(() => new WebAssembly.Module(empty)),
        text: tries(() => new Function('return 1')()),
      };
    });
    expect(allowed).toEqual({ kernel: true, text: false });
  });

  it('shows names from a job file as text', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    const title = await bench.field('Job', 'Title');
    await bench.replanned(() => title.fill('<img src=x onerror=alert(1)>'));
    expect(await bench.title.textContent()).toBe('<img src=x onerror=alert(1)>');
    await bench.save(1);
    await page.goto(`${page.url()}/card`);
    expect(await page.getByRole('main').textContent()).toContain('<img src=x onerror=alert(1)>');
  });
});
