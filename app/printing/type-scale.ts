// The typographic scale of every sheet: sizes in points, weights, greys. Greys stay dark enough to survive a copier.

export type FontName = 'regular' | 'semibold' | 'italic';

export type TextStyle = {
  readonly font: FontName;
  readonly size: number;
  readonly lineHeight: number;
  readonly colour: string;
  /** Extra space after each character. */
  readonly tracking: number;
};

export const ink = '#111111';
export const quietInk = '#4d4d4d';
export const ruleInk = '#8c8c8c';
export const paperWhite = '#ffffff';

function style(font: FontName, size: number, lineHeight: number, colour = ink, tracking = 0): TextStyle {
  return { font, size, lineHeight, colour, tracking };
}

export const type = {
  body: style('regular', 10, 13.5),
  bodyStrong: style('semibold', 10, 13.5),
  bodyQuiet: style('regular', 9, 12.5, quietInk),
  small: style('regular', 8.8, 11.8),
  smallStrong: style('semibold', 8.8, 11.8),
  smallQuiet: style('regular', 8.8, 11.8, quietInk),
  smallItalic: style('italic', 8.2, 11, quietInk),
  label: style('semibold', 7.2, 10, quietInk, 0.25),
  heading2: style('semibold', 13, 17),
  heading3: style('semibold', 10.5, 14),
  title: style('semibold', 11, 14, quietInk, 0.3),
  name: style('regular', 16, 20),
  tag: style('semibold', 20, 24),
  verdict: style('semibold', 27, 33),
  step: style('semibold', 10.5, 14),
  running: style('regular', 8.4, 11.5, quietInk),
  runningStrong: style('semibold', 8.4, 11.5),
  barcodeText: style('regular', 8.8, 12),
} as const;

export function withColour(base: TextStyle, colour: string): TextStyle {
  return { ...base, colour };
}

export function sized(base: TextStyle, size: number): TextStyle {
  return { ...base, size, lineHeight: (base.lineHeight / base.size) * size };
}
