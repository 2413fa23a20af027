import type { ComponentChildren } from 'preact';
import { Icon } from '../drawings/icons.tsx';
import { canRedo, canUndo, redo, redoNote, undo, undoNote } from '../state/job.ts';
import { go, type Route } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { JobMenu } from './job-menu.tsx';

/** The head of every page: where one is (or what is chosen), undo, and the job menu. `back` leads out of a leaf. */
export function TopBar({
  title,
  small,
  back,
  children,
}: {
  title?: string;
  small?: string;
  back?: Route;
  children?: ComponentChildren;
}) {
  const t = texts.value.common;
  return (
    <header class={back ? 'top back' : 'top'}>
      {back && (
        <button type="button" class="icon" aria-label={t.back} onClick={() => go(back)}>
          <Icon name="back" />
        </button>
      )}
      {children ?? (
        <h1>
          {title} {small && <small>{small}</small>}
        </h1>
      )}
      <UndoButtons />
      <JobMenu />
    </header>
  );
}

/** Undo names what it would take back; do-again appears only when there is something to bring back. */
export function UndoButtons() {
  const { common, notes } = texts.value;
  return (
    <>
      {canRedo.value && (
        <button
          type="button"
          class="icon"
          aria-label={common.redoThis(notes[redoNote.value ?? 'value'])}
          onClick={redo}
        >
          <Icon name="redo" />
        </button>
      )}
      <button
        type="button"
        class="icon"
        disabled={!canUndo.value}
        aria-label={canUndo.value ? common.undoThis(notes[undoNote.value ?? 'value']) : common.undo}
        title={canUndo.value ? common.undoThis(notes[undoNote.value ?? 'value']) : undefined}
        onClick={undo}
      >
        <Icon name="undo" />
      </button>
    </>
  );
}
