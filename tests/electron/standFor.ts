/** Those few members of a thing of Electron's that a test is about; what else it has is not there. */
export function standFor<Thing>(members: { readonly [Name in keyof Thing]?: unknown }): Thing {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- Electron's own objects cannot be made outside it
  return members as Thing;
}
