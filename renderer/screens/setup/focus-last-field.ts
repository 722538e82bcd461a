// Puts the focus into the entry that was just added to a section's table, once it is drawn.

export function focusLastField(part: 'people' | 'checklist'): void {
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>(`.setup-section.is-${part} tbody tr:last-child input[type="text"]`)?.focus();
  });
}
