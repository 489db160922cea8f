import type { Locator, Page } from 'playwright-core';

import { writeAddress, type Place } from '../../renderer/store/places.ts';
import type { Hands } from './hands.ts';

/** Questions of the set-up screens and the answers to them; what is left out stays as it is. */
export interface Wish {
  /** The card's name, or how it begins. */
  readonly card?: string;
  readonly count?: 'Tap every shot' | 'A count for each spot';
  readonly missSides?: boolean;
  readonly nerves?: number;
  readonly stake?: string;
  readonly hard?: 'Two in three' | 'Even' | 'One in three' | 'No mark';
  readonly makesNeeded?: number;
  readonly showChance?: boolean;
  readonly clock?: 'None' | 'One for the round' | 'One for each shot';
  readonly seconds?: number;
  readonly crowd?: boolean;
  readonly seen?: 'Nobody' | 'Someone watches' | 'A friend films it' | 'Someone judges it';
  /** What the body says before pressure: nothing, unless told; `null` leaves it unanswered. */
  readonly body?: readonly ('Sore' | 'Ill' | 'Slept badly')[] | null;
}

/** Someone who shoots with Loud Gym, and does only what a person can do. */
export class Shooter {
  readonly page: Page;
  readonly hands: Hands;

  constructor(page: Page, hands: Hands) {
    this.page = page;
    this.hands = hands;
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name, exact: true });
  }

  link(name: string | RegExp): Locator {
    return this.page.getByRole('link', { name, exact: true });
  }

  answer(question: string | RegExp, answer: string | RegExp): Locator {
    return this.page.getByRole('group', { name: question }).getByRole('radio', { name: answer, exact: true });
  }

  async press(name: string | RegExp): Promise<void> {
    await this.hands.press(this.button(name));
  }

  async follow(name: string | RegExp): Promise<void> {
    await this.hands.press(this.link(name));
  }

  async choose(question: string | RegExp, answer: string | RegExp): Promise<void> {
    await this.hands.choose(this.answer(question, answer));
  }

  /** Goes straight to a screen by its address. */
  async visit(place: Place, about: string | null = null): Promise<void> {
    await this.page.evaluate(
      (hash) => {
        window.location.hash = hash;
      },
      writeAddress(place, about),
    );
  }

  /** Waits until the screen with this title stands. */
  async sees(title: string | RegExp): Promise<void> {
    await this.page.getByRole('heading', { level: 1, name: title, exact: true }).waitFor();
  }

  async turnSoundOn(): Promise<void> {
    await this.press(/^Turn the sound on/);
    await this.press('I hear it');
  }

  async addShooter(name: string): Promise<void> {
    await this.hands.write(this.page.getByLabel('Name', { exact: true }), name);
    await this.press('Add this shooter');
  }

  /** From an empty profile to the bench. */
  async begin(url: string, name: string): Promise<void> {
    await this.page.goto(url);
    await this.turnSoundOn();
    await this.addShooter(name);
    await this.sees(name);
  }

  /** Fills in the set-up screen of a round or a pair. */
  async wish(wish: Wish): Promise<void> {
    const yesNo = (yes: boolean): string => (yes ? 'Yes' : 'No');
    await this.page.locator('.start-bar').waitFor();
    if (wish.body !== null) await this.tellBody(wish.body ?? []);
    if (wish.card !== undefined) await this.choose('Which card?', new RegExp(`^${wish.card}`));
    if (wish.count) await this.choose('How do you keep count?', wish.count);
    if (wish.missSides !== undefined) await this.choose('Note where a miss went?', yesNo(wish.missSides));
    if (wish.stake !== undefined) {
      await this.hands.write(this.page.getByLabel('In your own words'), wish.stake);
    }
    if (wish.hard) await this.choose('How hard should it be?', wish.hard);
    if (wish.makesNeeded !== undefined) await this.step('Makes needed', wish.makesNeeded);
    if (wish.showChance !== undefined) {
      await this.choose('Show the chance while you shoot?', yesNo(wish.showChance));
    }
    if (wish.clock) await this.choose('Which clock?', wish.clock);
    if (wish.seconds !== undefined) await this.step(/^Seconds for/, wish.seconds);
    if (wish.crowd !== undefined) {
      await this.choose('Crowd noise from the loudspeaker?', yesNo(wish.crowd));
    }
    if (wish.seen) await this.choose('Who sees this round?', wish.seen);
    if (wish.nerves !== undefined) await this.rateNerves(wish.nerves);
  }

  /** Answers the questions about the body, where they are asked. */
  async tellBody(yes: readonly string[]): Promise<void> {
    const well = this.button('No to all three');
    if (!(await well.isVisible())) return;
    if (yes.length === 0) {
      await this.hands.press(well);
    } else {
      for (const question of ['Sore', 'Ill', 'Slept badly']) {
        await this.choose(new RegExp(`^${question}`), yes.includes(question) ? 'Yes' : 'No');
      }
    }
    await this.button('That has changed').waitFor();
  }

  async rateNerves(nerves: number): Promise<void> {
    await this.choose('How nervous are you right now?', String(nerves));
  }

  /** Steps a number up or down until it reads `to`. */
  async step(label: string | RegExp, to: number): Promise<void> {
    const stepper = this.page.getByRole('group', { name: label });
    const figure = stepper.getByRole('status');
    for (;;) {
      const words = await figure.innerText();
      const now = Number.parseFloat(words);
      if (now === to) return;
      await this.hands.press(stepper.getByRole('button', { name: now > to ? /: less$/ : /: more$/ }));
      await figure.filter({ hasNotText: words }).waitFor();
    }
  }

  /** Sets a round up from the bench, and walks to the court. */
  async setUp(kind: 'Relaxed round' | 'Pressured round', wish: Wish): Promise<void> {
    await this.follow(new RegExp(`^${kind}`));
    await this.wish(wish);
    await this.press(/^To the court/);
    await this.page.locator('.court').waitFor();
  }

  /** Says go, and waits until shots count. */
  async go(): Promise<void> {
    await this.press(/^(Start|Go on|Start the countdown)$/);
    await this.page.locator('.halves, .count-pad').waitFor();
  }

  /** Shoots: `●` is a make, `○` a miss; anything else is for the eye. */
  async shoot(shots: string): Promise<void> {
    for (const shot of shots) {
      if (shot === '●') await this.hands.make();
      else if (shot === '○') await this.hands.miss();
    }
  }

  /** After the round: how it felt. */
  async rateAfter(nerves: number, effort: number): Promise<void> {
    await this.choose('How nervous were you during the round?', String(nerves));
    await this.choose('How hard was the round for your body?', String(effort));
    await this.done();
  }

  /** Leaves the verdict, once what was said of the round is saved. */
  async done(): Promise<void> {
    const done = this.button(/^(Done|On to the second round)/);
    await this.hands.press(done);
    await done.waitFor({ state: 'hidden' });
  }
}
