import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The window. Everything it loads is a file of its own origin, as the content security policy demands. */
export default defineConfig({
  root: join(import.meta.dirname, 'renderer'),
  base: '/',
  publicDir: false,
  plugins: [react()],
  build: {
    outDir: join(import.meta.dirname, 'dist/renderer'),
    emptyOutDir: true,
    sourcemap: false,
    target: 'chrome120',
    // A small font or drawing inlined as a data: address would be blocked by the policy.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1200,
  },
});
