import type { ToolName } from '../mapTypes.ts';
import { createPlacingTool } from '../underlay/placingTool.ts';
import { createChooseTool } from './choose/chooseTool.ts';
import { createDigTool } from './digTool.ts';
import { createFenceTool } from './fenceTool.ts';
import { createGatewayTool } from './gatewayTool.ts';
import { createPlaceTool } from './placeTool.ts';
import { createPostTool } from './postTool.ts';
import { createServiceTool } from './serviceTool.ts';
import { createSourceTool } from './sourceTool.ts';
import { createSwitchTool } from './switchTool.ts';
import type { Tool, ToolContext } from './tool.ts';

export function createTools(context: ToolContext): Readonly<Record<ToolName, Tool>> {
  return {
    choose: createChooseTool(context),
    fence: createFenceTool(context),
    gateway: createGatewayTool(context),
    source: createSourceTool(context),
    post: createPostTool(context),
    switch: createSwitchTool(context),
    place: createPlaceTool(context),
    service: createServiceTool(context),
    digPoint: createDigTool(context, 'point'),
    digLine: createDigTool(context, 'line'),
    digArea: createDigTool(context, 'area'),
    pin: createPlacingTool(context),
  };
}
