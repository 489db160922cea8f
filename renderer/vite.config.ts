import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Builds the one page that both the desktop shell and the tablet's browser load. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  publicDir: '../assets/public',
  plugins: [react()],
  // The SQLite package finds its .wasm file beside its own module; pre-bundling would move it.
  optimizeDeps: { exclude: ['@sqlite.org/sqlite-wasm'] },
  worker: { format: 'es' },
  server: { host: '127.0.0.1', port: 4173, strictPort: true },
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 900,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
});
