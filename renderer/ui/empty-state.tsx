// What stands where nothing is yet: one sentence on what to do, and the way to do it.
import './empty-state.css';
import type { ReactNode } from 'react';

export type EmptyStateProps = { readonly sentence: string; readonly action?: ReactNode };

export function EmptyState({ sentence, action }: EmptyStateProps) {
  return (
    <div className="empty-state">
      <p>{sentence}</p>
      {action}
    </div>
  );
}
