/** What runs in the page while the window is measured; each function stands alone, since it is sent there as text. */

export interface Frames {
  /** Milliseconds from one frame to the next, sorted. */
  readonly gaps: readonly number[];
}

/** Moves the picture with real wheel events or a real drag, one step a frame, and times the frames. */
export function moveForFrames({ way, count }: { way: 'zoom' | 'pan'; count: number }): Promise<Frames> {
  const picture = document.querySelector('.picture');
  if (!picture) throw new Error('no picture');
  const { left, top, width, height } = picture.getBoundingClientRect();
  const [x, y] = [left + width / 2, top + height / 2];
  const pointer = (name: string, step: number) =>
    picture.dispatchEvent(
      new PointerEvent(name, {
        ...{ bubbles: true, cancelable: true, pointerId: 1, button: 0, buttons: 1 },
        ...{ clientX: x + 120 * Math.sin(step / 9), clientY: y + 80 * Math.sin(step / 7) },
      }),
    );
  const wheel = (step: number) =>
    picture.dispatchEvent(
      new WheelEvent('wheel', {
        ...{ bubbles: true, cancelable: true, clientX: x, clientY: y },
        deltaY: step % 60 < 30 ? -40 : 40,
      }),
    );
  // A made-up pointer can not be captured; the drag needs no more than its events.
  Element.prototype.setPointerCapture = () => undefined;
  if (way === 'pan') pointer('pointerdown', 0);
  return new Promise((resolve) => {
    const gaps: number[] = [];
    let last = performance.now();
    let step = 0;
    const frame = () => {
      const now = performance.now();
      if (step > 0) gaps.push(now - last);
      last = now;
      if (step === count) {
        if (way === 'pan') pointer('pointerup', step);
        resolve({ gaps: gaps.sort((a, b) => a - b) });
        return;
      }
      step++;
      if (way === 'pan') pointer('pointermove', step);
      else wheel(step);
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
}

/** Milliseconds from dropping a drawing to the first frame in which the picture shows something. */
export function dropAndWait({ name, text }: { name: string; text: string }): Promise<number> {
  const held = new DataTransfer();
  held.items.add(new File([text], name));
  const small = document.createElement('canvas');
  small.width = 96;
  small.height = 64;
  const context = small.getContext('2d', { willReadFrequently: true });
  const isDrawn = (canvas: HTMLCanvasElement): boolean => {
    if (canvas.width === 0 || canvas.height === 0) return false;
    context?.clearRect(0, 0, 96, 64);
    context?.drawImage(canvas, 0, 0, 96, 64);
    return context?.getImageData(0, 0, 96, 64).data.some((value) => value > 0) ?? false;
  };
  const begun = performance.now();
  for (const kind of ['dragenter', 'dragover', 'drop']) {
    const event = new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer: held });
    document.querySelector('.window')?.dispatchEvent(event);
  }
  return new Promise((resolve) => {
    const look = () => {
      const canvases = [...document.querySelectorAll<HTMLCanvasElement>('.picture canvas')];
      if (canvases.some(isDrawn)) resolve(performance.now() - begun);
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
}

/** Begins to watch; the answer, `window.pictureAfterEnter`, is the milliseconds from the next Enter to the first frame with another picture. */
export function watchForEdit(): void {
  const canvas = document.querySelector<HTMLCanvasElement>('.picture canvas');
  const context = canvas?.getContext('2d', { willReadFrequently: true });
  if (!canvas || !context) throw new Error('no picture');
  const words = () => new Uint32Array(context.getImageData(0, 0, canvas.width, canvas.height).data.buffer);
  const before = words();
  const page = window as Window & { pictureAfterEnter?: Promise<number> };
  page.pictureAfterEnter = new Promise((resolve) => {
    const onEnter = (event: KeyboardEvent) => {
      if (event.key !== 'Enter') return;
      removeEventListener('keydown', onEnter, true);
      const begun = performance.now();
      const look = () => {
        if (words().some((word, i) => word !== before[i])) resolve(performance.now() - begun);
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    };
    addEventListener('keydown', onEnter, true);
  });
}
