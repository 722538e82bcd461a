// The invented dealer's logo, drawn by code: an arch over a road in two colours. It is nobody's sign.
import { PNG } from 'pngjs';

const side = 120;
const blue = [0x1f, 0x4e, 0x6b] as const;
const ochre = [0xb8, 0x7a, 0x1e] as const;
const white = [0xff, 0xff, 0xff] as const;

function colourAt(x: number, y: number): readonly [number, number, number] {
  const fromMiddle = Math.hypot(x - side / 2, y - 72);
  if (y < 72 && fromMiddle < 54 && fromMiddle > 36) return blue;
  if (y < 72 && fromMiddle < 28 && fromMiddle > 18) return ochre;
  if (y >= 80 && y < 92 && x >= 6 && x < 114) return blue;
  return y >= 98 && y < 106 && x >= 6 && x < 114 && Math.floor((x - 6) / 18) % 2 === 0 ? ochre : white;
}

/** Not packed, so that its bytes are the same with every version of the packing library. */
export function sampleLogo(): Buffer {
  const picture = new PNG({ width: side, height: side });
  for (let y = 0; y < side; y += 1)
    for (let x = 0; x < side; x += 1) picture.data.set([...colourAt(x, y), 255], (y * side + x) * 4);
  return PNG.sync.write(picture, { colorType: 2, inputHasAlpha: true, deflateLevel: 0, filterType: 0 });
}
