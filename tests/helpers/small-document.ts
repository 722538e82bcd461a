// The smallest PDF that a reader opens: one empty page. `remark` makes its bytes differ from another's.

export function smallDocument(remark = ''): Buffer {
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] >>',
  ];
  let text = `%PDF-1.4\n% ${remark}\n`;
  const places = objects.map((object, at) => {
    const place = text.length;
    text += `${at + 1} 0 obj\n${object}\nendobj\n`;
    return place;
  });
  const table = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
  const from = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}`;
  text += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${from}\n%%EOF\n`;
  return Buffer.from(text, 'latin1');
}
