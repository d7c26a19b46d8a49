import { plainWords } from '../../core/words/figures.ts';

interface ViewButtonsProps {
  readonly onZoom: (steps: number) => void;
  readonly onFit: () => void;
}

/** Zoom in and out, and all of it. */
export function ViewButtons({ onZoom, onFit }: ViewButtonsProps) {
  const words = plainWords().window.map.view;
  return (
    <section className="map-view-buttons" aria-label={words.title}>
      <button type="button" aria-label={words.zoomIn} title={words.zoomInTip} onClick={() => onZoom(1)}>
        +
      </button>
      <button type="button" aria-label={words.zoomOut} title={words.zoomOutTip} onClick={() => onZoom(-1)}>
        −
      </button>
      <button type="button" aria-label={words.whole} title={words.wholeTip} onClick={onFit}>
        {words.all}
      </button>
    </section>
  );
}
