import { startPage } from './startPage.ts';
import { type Port, serve } from './worker/serve.ts';

// One script for page and worker, so that the page is one file: it starts the worker from its own text.
if (typeof document === 'undefined') serve(globalThis as unknown as Port);
else startPage(document, document.currentScript?.textContent ?? '');
