/** A worker's own way of reading: the library of types for pages lacks it. */
declare class FileReaderSync {
  readAsArrayBuffer(blob: Blob): ArrayBuffer;
}
