/** An angle in degrees, brought into (−180, 180]. */
export function principalDegrees(angleRad: number): number {
  const degrees = (angleRad * 180) / Math.PI;
  return degrees - 360 * Math.ceil((degrees - 180) / 360);
}
