/** Everything the web app needs comes from this server; nothing inline, nothing from elsewhere. */
const WEB_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

const ALWAYS = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
} as const;

export const WEB_HEADERS = {
  ...ALWAYS,
  'content-security-policy': WEB_POLICY,
  'permissions-policy': 'camera=(self), microphone=(), geolocation=()',
} as const;

/** Answers of the API are data about one plant at one moment: never kept by anything between us and the reader. */
export const API_HEADERS = {
  ...ALWAYS,
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
  'cache-control': 'no-store',
} as const;
