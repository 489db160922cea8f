import { lazy, type ComponentType } from 'react';

/** A screen whose code comes when it is asked for. Fetched before, it stands at once, without a moment's waiting. */
export interface Later<Props> {
  readonly Screen: ComponentType<Props>;
  readonly fetch: () => Promise<void>;
}

/** @param load the screen's code, split off by the bundler */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): Later<Props> {
  let Ready: ComponentType<Props> | null = null;
  const fetch = async (): Promise<void> => {
    Ready = await load();
  };
  const Waited = lazy(async () => {
    await fetch();
    return { default: Ready as ComponentType<Props> };
  });
  return {
    // React keeps what it has waited for back for up to 0.3 s; what is there already it draws at once.
    Screen: (props) => (Ready ? <Ready {...props} /> : <Waited {...props} />),
    fetch,
  };
}
