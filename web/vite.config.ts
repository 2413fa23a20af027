import { defineConfig } from 'vite';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));

/** The pure core and the text tables have no side effects, so what a page does not use is left out of it. */
const hasSideEffects = (id: string): boolean => id.endsWith('.css') || id.includes('/web/') || !id.includes('/src/');

export default defineConfig({
  root: here,
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 5000,
    rollupOptions: { treeshake: { moduleSideEffects: (id) => hasSideEffects(id) } },
  },
  worker: { format: 'es', rollupOptions: { treeshake: { moduleSideEffects: (id) => hasSideEffects(id) } } },
  server: { host: '127.0.0.1', fs: { allow: [fileURLToPath(new URL('..', import.meta.url))] } },
});
