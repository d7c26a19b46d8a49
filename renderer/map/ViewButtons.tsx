interface ViewButtonsProps {
  readonly onZoom: (steps: number) => void;
  readonly onFit: () => void;
}

/** Zoom in and out, and all of it. */
export function ViewButtons({ onZoom, onFit }: ViewButtonsProps) {
  return (
    <section className="map-view-buttons" aria-label="View">
      <button type="button" aria-label="Zoom in" title="Zoom in (+)" onClick={() => onZoom(1)}>
        +
      </button>
      <button type="button" aria-label="Zoom out" title="Zoom out (-)" onClick={() => onZoom(-1)}>
        −
      </button>
      <button type="button" aria-label="All of the property" title="Whole property (Home)" onClick={onFit}>
        All
      </button>
    </section>
  );
}
