import type { ComponentChildren } from 'preact';
import { Icon } from '../drawings/icons.tsx';
import { texts } from '../texts/index.ts';
import type { Stage } from './gestures/index.ts';
import { photoPicture } from './photo-address.ts';
import { placeOn, type StageInHand } from './use-stage.ts';

type Props = {
  photoId: string;
  inHand: StageInHand;
  alt: string;
  /** what is drawn over the photo */
  drawing: (stage: Stage) => ComponentChildren;
  /** further buttons beside closer and whole */
  buttons?: ComponentChildren;
};

/** The photo as it lies on its stage, what is drawn over it, and the buttons for whoever has only one finger free. */
export function StageFrame({ photoId, inHand, alt, drawing, buttons }: Props) {
  const t = texts.value.photo;
  const { root, step, send, zoom } = inHand;
  const stage = step.value?.stage;
  const touch = (event: PointerEvent) => ({ id: event.pointerId, at: placeOn(root.current!, event) });
  return (
    <div class="stage-frame">
      <div
        ref={root}
        class="stage ltr"
        onPointerDown={(event) => {
          if (event.button > 0) return;
          root.current?.setPointerCapture(event.pointerId);
          send({ type: 'down', touch: touch(event) });
        }}
        onPointerMove={(event) => send({ type: 'move', touch: touch(event) })}
        onPointerUp={(event) => send({ type: 'up', touch: touch(event) })}
        onPointerCancel={(event) => send({ type: 'interrupt', id: event.pointerId })}
        onKeyDown={(event) => event.key === 'Escape' && send({ type: 'cancel' })}
      >
        {stage && (
          <>
            <img
              src={photoPicture(photoId, stage.photo.width)}
              alt={alt}
              draggable={false}
              style={{
                width: `${stage.photo.width * stage.view.scale}px`,
                height: `${stage.photo.height * stage.view.scale}px`,
                transform: `translate(${stage.view.x}px, ${stage.view.y}px)`,
              }}
            />
            {drawing(stage)}
          </>
        )}
      </div>
      <div class="zoom-buttons">
        <button type="button" class="icon" aria-label={t.closer} onClick={() => zoom(1.6)}>
          <Icon name="plus" />
        </button>
        <button type="button" class="icon" aria-label={t.whole} onClick={() => zoom(0.01)}>
          <Icon name="whole" />
        </button>
        {buttons}
      </div>
    </div>
  );
}
