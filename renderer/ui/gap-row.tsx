// The empty room in a long table that stands for rows not drawn.

export function GapRow({ height, columns }: { readonly height: number; readonly columns: number }) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a row is no place for the focus, and this one is only room.
    <tr aria-hidden="true">
      <td colSpan={columns} style={{ height }} />
    </tr>
  );
}
