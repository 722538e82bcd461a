// Goes to the field before or after another one, as Tab would from its end. For inputs that have stops of their own inside.

const reachable = 'input, select, textarea, button, a[href], summary, [tabindex]';

/** True when there was somewhere to go. */
export function focusBeside(element: HTMLElement, isBackwards: boolean): boolean {
  const place = element.closest('dialog') ?? document.body;
  const stops = [...place.querySelectorAll<HTMLElement>(reachable)].filter(
    (stop) => stop === element || (stop.tabIndex >= 0 && stop.getClientRects().length > 0),
  );
  const next = stops[stops.indexOf(element) + (isBackwards ? -1 : 1)];
  next?.focus();
  return next !== undefined;
}
