import { caution, noCertificate } from '../cautions.ts';

/** What stands at the foot of every text to paste. */
export const markdownFoot: string = `> ${caution} **${noCertificate}**\n`;
