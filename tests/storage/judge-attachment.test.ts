// What a file is, told by its bytes: kinds, sizes as they are looked at, and what the page may call a copy of a picture.
import { describe, expect, it } from 'vitest';
import { isCopyOfPicture, judgeAttachment } from '../../app/storage/judge-attachment.ts';
import { madeJpeg, madePng } from '../helpers/made-pictures.ts';
import { smallDocument } from '../helpers/small-document.ts';

describe('judging', () => {
  it.each([
    ['a JPEG', madeJpeg({ width: 40, height: 30 }), { kind: 'jpeg', widthDots: 40, heightDots: 30 }],
    [
      'a JPEG in inks',
      madeJpeg({ width: 40, height: 30, colours: 4 }),
      { kind: 'jpeg', widthDots: 40, heightDots: 30 },
    ],
    ['a PNG', madePng(40, 30), { kind: 'png', widthDots: 40, heightDots: 30 }],
    ['a PDF', smallDocument(), { kind: 'pdf', widthDots: null, heightDots: null }],
  ])('knows %s', (_what, bytes, form) => {
    expect(judgeAttachment(bytes)).toEqual(form);
  });

  it.each(
    [1, 2, 3, 4, 5, 6, 7, 8].flatMap((orientation) => [true, false].map((isMotorola) => ({ orientation, isMotorola }))),
  )(
    'takes a JPEG as it is looked at: turned by $orientation, Motorola order $isMotorola',
    ({ orientation, isMotorola }) => {
      const [widthDots, heightDots] = orientation >= 5 ? [30, 40] : [40, 30];
      const bytes = madeJpeg({ width: 40, height: 30, orientation, isMotorola });
      expect(judgeAttachment(bytes)).toEqual({ kind: 'jpeg', widthDots, heightDots });
    },
  );

  it('never throws, wherever a file was cut off or whatever byte of its head was turned', () => {
    const whole = [madeJpeg({ width: 40, height: 30, orientation: 6 }), madePng(8, 6), smallDocument()];
    for (const bytes of whole)
      for (let at = 0; at < Math.min(bytes.length, 300); at += 1) {
        const turned = Buffer.from(bytes);
        turned[at] = (turned[at] ?? 0) ^ 0xff;
        expect(['string', 'object']).toContain(typeof judgeAttachment(bytes.subarray(0, at)));
        expect(['string', 'object']).toContain(typeof judgeAttachment(turned));
      }
  });

  it('takes a PDF with something after its end, and none whose end is not there', () => {
    expect(judgeAttachment(Buffer.concat([smallDocument(), Buffer.alloc(900)]))).toMatchObject({ kind: 'pdf' });
    expect(judgeAttachment(Buffer.concat([smallDocument(), Buffer.alloc(2000)]))).toMatch(/damaged/);
  });
});

describe('a copy of a picture', () => {
  it('is a JPEG in ordinary colours within its size', () => {
    expect(isCopyOfPicture(madeJpeg({ width: 320, height: 240 }), 'small')).toBe(true);
    expect(isCopyOfPicture(madeJpeg({ width: 321, height: 240 }), 'small')).toBe(false);
    expect(isCopyOfPicture(madeJpeg({ width: 1200, height: 1600, colours: 1 }), 'print')).toBe(true);
    expect(isCopyOfPicture(madeJpeg({ width: 1200, height: 1601 }), 'print')).toBe(false);
    expect(isCopyOfPicture(madeJpeg({ width: 12, height: 16, colours: 4 }), 'print')).toBe(false);
    expect(isCopyOfPicture(madePng(12, 16), 'print')).toBe(false);
  });
});
