import type L from 'leaflet';
import type { Pointer } from '../tools/tool.ts';

export interface PointerEvents {
  move(at: Pointer): void;
  click(at: Pointer): void;
  doubleClick(at: Pointer): void;
  /** True: the press begins a drag of the tool's own, and the map stays where it is. */
  press(at: Pointer): boolean;
  drag(at: Pointer): void;
  release(at: Pointer, moved: boolean): void;
  out(): void;
}

/** A press that moves further than this is a drag, not a click. */
const clickSlackPx = 4;

/** Mouse, pen and touch on the map, in plane metres. Returns what stops it. */
export function listenToPointer(stage: HTMLElement, map: L.Map, events: PointerEvents): () => void {
  const stop = new AbortController();
  let pressedAt: readonly [number, number] | null = null;
  let own = false;
  let moved = false;

  const at = (event: MouseEvent): Pointer => {
    const { lat, lng } = map.mouseEventToLatLng(event);
    const { shiftKey, altKey, ctrlKey, metaKey } = event;
    return { xy: [lng, lat], shift: shiftKey, alt: altKey, ctrl: ctrlKey || metaKey, byKeyboard: false };
  };
  const listen = <K extends keyof HTMLElementEventMap>(
    type: K,
    heard: (event: HTMLElementEventMap[K]) => void,
    capture = false,
  ) => stage.addEventListener(type, heard, { signal: stop.signal, capture });

  listen(
    'pointerdown',
    (event) => {
      if (event.button !== 0 || !event.isPrimary) return;
      pressedAt = [event.clientX, event.clientY];
      moved = false;
      own = events.press(at(event));
      if (!own) return;
      // Before Leaflet hears of it, so that it does not pan; the map has it back at the end of the press.
      map.dragging.disable();
      stage.setPointerCapture(event.pointerId);
    },
    true,
  );
  listen('pointermove', (event) => {
    if (!event.isPrimary) return;
    if (pressedAt) {
      moved ||= Math.hypot(event.clientX - pressedAt[0], event.clientY - pressedAt[1]) > clickSlackPx;
      if (!own) return;
      if (moved) events.drag(at(event));
    } else events.move(at(event));
  });
  const end = (event: PointerEvent) => {
    if (!event.isPrimary || !pressedAt) return;
    pressedAt = null;
    if (!own) return;
    own = false;
    map.dragging.enable();
    events.release(at(event), moved && event.type === 'pointerup');
  };
  listen('pointerup', end);
  listen('pointercancel', end);
  listen('click', (event) => {
    if (!moved) events.click(at(event));
  });
  listen('dblclick', (event) => events.doubleClick(at(event)));
  listen('pointerleave', () => {
    if (!pressedAt) events.out();
  });
  return () => stop.abort();
}
