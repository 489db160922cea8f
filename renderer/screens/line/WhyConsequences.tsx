/** Why something is put on the line, folded up where it is set. */
export function WhyConsequences() {
  return (
    <details className="fold">
      <summary>Why something on the line, and why never money</summary>
      <ConsequenceFacts />
    </details>
  );
}

/** What is known of consequences and of stakes; the sources stand on the page on how things are worked out. */
export function ConsequenceFacts() {
  return (
    <>
      <p>
        What a round leads to raises pressure more than a harder task does. In a study of six international
        disability shooters, at targets and not at baskets, harder demands alone changed neither pressure nor
        anxiety; being judged and a forfeit did, and being judged weighed most and did most harm (Stoker and
        others 2019). That is why there is a ladder, and why it has brakes.
      </p>
      <p>
        Practice under pressure helps: over 14 studies with 394 people, an outlier left out, the gain was 0.67
        of a standard deviation, from 0.43 to 1.12 (Low and others 2021). It comes near to a game’s pressure
        and does not replace it (Low and others 2022).
      </p>
      <p>
        A small favour does what is needed. Under the rules of US college sport anything of value makes a
        wager, be it cash, a shirt or a meal (NCAA, as a university’s compliance office puts it). Nearly 45 in
        100 students asked in one of its studies, told of in 2007, had placed their first sports bet in high
        school or before. So nothing here is bought, paid out or lost in money, and the chances shown say how
        hard a mark is, nothing else.
      </p>
    </>
  );
}
