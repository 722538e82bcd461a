// The moments after the first rows of the lot, for what would otherwise keep them: the backup of the day, the sold vehicles.

/** How long the page has to draw its first rows before the backup of the day takes its share of the machine. */
const drawingMs = 1500;

/** Promises for the moments after the first rows; `giveUp` makes them come true at once, because nobody looks any more. */
export function whenFirstRowsAreOut() {
  let sendOut: () => void = () => undefined;
  let drawOut: () => void = () => undefined;
  const areOut = new Promise<void>((resolve) => {
    sendOut = resolve;
  });
  const areDrawn = new Promise<void>((resolve) => {
    drawOut = resolve;
  });
  // Where nobody asks for rows yet, because somebody has to sign in first, the time is used.
  setTimeout(sendOut, drawingMs).unref();
  const giveUp = () => {
    sendOut();
    drawOut();
  };
  const wereSent = () => {
    sendOut();
    setTimeout(drawOut, drawingMs).unref();
  };
  return { areOut, areDrawn, giveUp, wereSent };
}
