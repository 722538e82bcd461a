// Says a changing sentence to a screen reader without moving the focus. Draws nothing.

export type LiveRegionProps = { readonly text: string; readonly isUrgent?: boolean };

export function LiveRegion({ text, isUrgent = false }: LiveRegionProps) {
  return (
    <div className="unseen" role={isUrgent ? 'alert' : 'status'} aria-live={isUrgent ? 'assertive' : 'polite'}>
      {text}
    </div>
  );
}
