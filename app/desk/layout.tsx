import type { Metadata, Viewport } from 'next';
import { connection } from 'next/server';
import type { ReactElement, ReactNode } from 'react';
import { builtFile } from '../_http/built-files.ts';
import { deskLocale } from './_parts/desk-locale.ts';

export const metadata: Metadata = {
  title: { default: 'Tailpiece', template: '%s · Tailpiece' },
  robots: { index: false, follow: false },
  icons: { icon: '/icon.svg' },
};

export const viewport: Viewport = {
  colorScheme: 'light dark',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#fbf8f0' },
    { media: '(prefers-color-scheme: dark)', color: '#12171f' },
  ],
};

export default async function DeskLayout({ children }: { children: ReactNode }): Promise<ReactElement> {
  // The policy's nonce is new at each request: nothing of the desk may be rendered beforehand.
  await connection();
  return (
    <html lang={await deskLocale()}>
      <head>
        <link rel="stylesheet" href={builtFile('desk.css')} />
      </head>
      <body>{children}</body>
    </html>
  );
}
