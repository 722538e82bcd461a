// Files that a person drags onto the vehicle's page or pastes there, wherever on it. What another part of the page takes for itself (a
// report dropped on its box, text pasted into a field) is left to it.
import { useEffect, useRef, useState } from 'react';

function holdsFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes('Files') === true;
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
}

/** Listens while `isWanted`; true while files are held over the window, not let go yet. */
export function useTakenFiles(isWanted: boolean, take: (files: readonly File[]) => void): boolean {
  const [isOver, setIsOver] = useState(false);
  const latest = useRef(take);
  latest.current = take;
  useEffect(() => {
    if (!isWanted) return;
    const over = (event: DragEvent) => {
      const isOurs = holdsFiles(event) && !event.defaultPrevented;
      setIsOver(isOurs);
      if (!isOurs) return;
      event.preventDefault();
      if (event.dataTransfer) event.dataTransfer.dropEffect = 'copy';
    };
    const leave = (event: DragEvent) => {
      // Null once the pointer is out of the window; else it only went from one element to the next.
      if (event.relatedTarget === null) setIsOver(false);
    };
    const drop = (event: DragEvent) => {
      setIsOver(false);
      if (event.defaultPrevented || !holdsFiles(event)) return;
      event.preventDefault();
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length > 0) latest.current(files);
    };
    const paste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (event.defaultPrevented || files.length === 0) return;
      // A passage copied out of a text program comes with a picture of itself: in a field the words are meant.
      if (isTyping(event.target) && event.clipboardData?.types.includes('text/plain')) return;
      event.preventDefault();
      latest.current(files);
    };
    const listeners = { dragenter: over, dragover: over, dragleave: leave, drop, paste } as const;
    for (const [name, listener] of Object.entries(listeners)) window.addEventListener(name, listener as EventListener);
    return () => {
      setIsOver(false);
      for (const [name, listener] of Object.entries(listeners))
        window.removeEventListener(name, listener as EventListener);
    };
  }, [isWanted]);
  return isOver;
}
