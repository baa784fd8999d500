/** Words on one line of the picture, pixels. */
export interface Words {
  readonly left: number;
  readonly right: number;
  readonly middle: number;
}

/** The same words as many lines lower as it takes to stand clear of those that are there. */
export function clearLine(wanted: Words, there: readonly Words[]): Words {
  const isCovered = there.some(
    ({ left, right, middle }) =>
      wanted.left < right && left < wanted.right && Math.abs(wanted.middle - middle) < line,
  );
  return isCovered ? clearLine({ ...wanted, middle: wanted.middle + line }, there) : wanted;
}

/** Pixels from line to line. */
const line = 16;
