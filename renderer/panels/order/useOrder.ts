import { useEffect } from 'react';
import { useOpenFile } from '../../state/appState.ts';
import { useOrderRoom, type WorkedOrder, workOutOrder } from '../../work/order.ts';

/** The order as last worked out (null: not yet), and whether it is of the drawing as it stands. */
export function useOrder(): {
  readonly worked: WorkedOrder | null;
  readonly fresh: boolean;
  readonly failed: string | null;
} {
  const { project } = useOpenFile();
  const { worked, failed } = useOrderRoom();
  useEffect(() => workOutOrder(project), [project]);
  return { worked, fresh: worked?.of === project, failed };
}
