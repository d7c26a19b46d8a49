interface ViewButtonsProps {
  readonly onZoom: (steps: number) => void;
  readonly onFit: () => void;
}

/** Nearer, further, and all of it. */
export function ViewButtons({ onZoom, onFit }: ViewButtonsProps) {
  return (
    <section className="map-view-buttons" aria-label="View">
      <button type="button" aria-label="Nearer" title="Nearer (+)" onClick={() => onZoom(1)}>
        +
      </button>
      <button type="button" aria-label="Further" title="Further (-)" onClick={() => onZoom(-1)}>
        −
      </button>
      <button type="button" aria-label="All of the property" title="Whole property (Home)" onClick={onFit}>
        All
      </button>
    </section>
  );
}
