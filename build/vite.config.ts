import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

// base './' lets the same build run from app:// (desktop shell) and from 127.0.0.1 (local window).
export default defineConfig({
  root: folder('../renderer'),
  base: './',
  plugins: [react()],
  // What the PDF library would load for pictures of web pages, which sheets have none of.
  worker: { format: 'es', rollupOptions: { external: ['html2canvas', 'canvg', 'dompurify'] } },
  build: {
    outDir: folder('../dist/window'),
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 2000,
  },
});
