/** What every sheet, card and page says of safety. */
export const caution =
  'Mains voltage can kill. Use an isolated or differential probe rated for the voltage and category; a scope’s ground clip is earth. Never connect an inverter’s output to building wiring. Local codes and licensed practice come first.';

/** What none of them is. */
export const noCertificate = 'A measurement, not a certificate.';
