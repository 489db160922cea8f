/**
 * What the page may load and run: its own files, and nothing typed into the page. SQLite is compiled code (WASM), which
 * needs 'wasm-unsafe-eval'; that allows no script. Sent with every file, since a worker goes by the header of its own script.
 */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "media-src 'self' blob:",
  "img-src 'self' data:",
  "font-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every file of the app, in the desktop shell and when `npm start` serves it for a browser. */
export const SAFETY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
};
