// What is sent with every file of the page, as data that a test asserts. The page gets its rules from here, never from a
// tag inside itself alone.

/** No source but our own files; no inline script or style, no evaluation of text, no frame, no form that leaves. */
export const contentSecurityPolicy = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'form-action': "'none'",
  'base-uri': "'none'",
  'frame-src': "'none'",
  'frame-ancestors': "'none'",
} as const;

/** Device features that a page could ask for. None is needed. */
const refusedFeatures = [
  'accelerometer',
  'autoplay',
  'bluetooth',
  'camera',
  'display-capture',
  'geolocation',
  'gyroscope',
  'hid',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'screen-wake-lock',
  'serial',
  'usb',
] as const;

export const pageHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': Object.entries(contentSecurityPolicy)
    .map(([directive, value]) => `${directive} ${value}`)
    .join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': refusedFeatures.map((feature) => `${feature}=()`).join(', '),
  'Cache-Control': 'no-store',
};
