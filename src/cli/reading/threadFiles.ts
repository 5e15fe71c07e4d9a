/** What threads start with. The command is built into files one folder deep, as this one is. */
export const readWorkerFile: URL = new URL('../reading/readWorker.js', import.meta.url);
export const measureWorkerFile: URL = new URL('../reading/measureWorker.js', import.meta.url);
