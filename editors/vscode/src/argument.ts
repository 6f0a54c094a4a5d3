/** What a sheet is of: the one argument of every command of the server. Knows nothing of the editor. */

/** A file of the house, and of what in it. */
export interface Argument {
  readonly uri: string;
  readonly element?: string;
  readonly upper?: string;
  readonly lower?: string;
}

/** Reads what a lens or a keybinding gives; nothing when it is no argument of ours. */
export function argumentOf(given: unknown): Argument | undefined {
  if (typeof given !== "object" || given === null) return undefined;
  const members = given as Record<string, unknown>;
  const { uri } = members;
  if (typeof uri !== "string") return undefined;
  const rest = ["element", "upper", "lower"].flatMap((name) => {
    const value = members[name];
    return typeof value === "string" ? [[name, value] as const] : [];
  });
  // Members in one order, so that the same sheet has the same address.
  return { uri, ...Object.fromEntries(rest) };
}

/** What a tab says: `takedown C1 (loon-cove)`. */
export function titleOf(name: string, { uri, element, upper, lower }: Argument): string {
  const file = decodeURIComponent(uri.split(/[/:]/).pop() ?? "").replace(/\.framing$/, "");
  const step = upper === undefined || lower === undefined ? undefined : `${upper} to ${lower}`;
  const words = [name, element, step, `(${file})`].filter((word) => word !== undefined);
  // A tab shows what stands behind the last stroke.
  return words.join(" ").replace(/[/\\]/g, "-");
}
