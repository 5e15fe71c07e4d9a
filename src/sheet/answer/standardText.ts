/** A standard with its edition: "EN 50160:2010", "NEMA MG 1 (edition not checked)". */
export function standardText(standard: string, edition: string): string {
  return /^\d/.test(edition) ? `${standard}:${edition}` : `${standard} (${edition})`;
}
