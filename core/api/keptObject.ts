import * as z from 'zod';

/**
 * An object of exactly this shape, and whatever else a newer version put into it: that is kept as it came. What is known must
 * still be right. Its type is that of the shape alone, so that no code leans on the rest; `unknownFields` finds it.
 */
export function object<const Shape extends z.core.$ZodLooseShape>(shape: Shape): z.ZodObject<Shape, z.core.$strip> {
  return z.looseObject(shape) as unknown as z.ZodObject<Shape, z.core.$strip>;
}
