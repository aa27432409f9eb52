import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

interface ModalProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/** A dialog over the page; Escape closes it and the focus goes back to where it was. */
export function Modal({ title, onClose, children }: ModalProps): VNode {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <dialog ref={dialog} class="modal" aria-labelledby="modal-title" onClose={onClose}>
      <h2 id="modal-title">{title}</h2>
      {children}
    </dialog>
  );
}
