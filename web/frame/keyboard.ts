/**
 * Keeps the field being typed in above a phone's keyboard, and the title block out of its way.
 * The keyboard shows itself only as a visual viewport that is much lower than the layout viewport.
 */
export function watchKeyboard(): void {
  const viewport = window.visualViewport;
  const root = document.documentElement;
  let tallest = viewport?.height ?? innerHeight;
  const isField = (element: Element | null): element is HTMLElement =>
    element instanceof HTMLElement && element.matches('input:not([type=file]), textarea');

  const showField = (): void => {
    const field = document.activeElement;
    if (isField(field)) field.scrollIntoView({ block: 'center' });
  };
  viewport?.addEventListener('resize', () => {
    tallest = Math.max(tallest, viewport.height);
    const keyboardUp = isField(document.activeElement) && viewport.height < tallest - 140;
    root.classList.toggle('typing', keyboardUp);
    if (keyboardUp) showField();
  });
  addEventListener('orientationchange', () => {
    tallest = 0;
  });
  addEventListener('focusout', () => root.classList.remove('typing'));
}
