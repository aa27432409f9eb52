/**
 * Everything the page uses comes from this program; no script and no style stands inside a page. The heat kernel is
 * WebAssembly out of this program's own script, which a page must be allowed to compile; it allows no other code.
 */
const POLICY = {
  'default-src': "'none'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'frame-src': "'self' blob:",
  'base-uri': "'none'",
  'form-action': "'none'",
};

/** Headers of every reply, to be asked for by an encrypted line only once it came over one; a page that is `framed` may be shown within the app, as a preview. */
export function securityHeaders(framed: boolean, encrypted = false): Readonly<Record<string, string>> {
  const policy = { ...POLICY, 'frame-ancestors': framed ? "'self'" : "'none'" };
  return {
    'content-security-policy': Object.entries(policy)
      .map(([name, sources]) => `${name} ${sources}`)
      .join('; '),
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'same-origin',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    ...(encrypted && { 'strict-transport-security': 'max-age=31536000' }),
    'x-frame-options': framed ? 'SAMEORIGIN' : 'DENY',
  };
}
