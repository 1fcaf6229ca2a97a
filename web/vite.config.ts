import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { serviceWorkerBuild } from './service-worker-build.ts';

const api = process.env.POURWRIGHT_API ?? 'http://127.0.0.1:4180';

/** The app is served by the server under a strict content policy: no inline script, no data: fonts, workers from self. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [react(), serviceWorkerBuild(fileURLToPath(new URL('./public', import.meta.url)))],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2022',
  },
  worker: { format: 'es' },
  server: { port: 4181, strictPort: false, proxy: { '/api': api } },
  preview: { port: 4182, strictPort: false, proxy: { '/api': api } },
});
