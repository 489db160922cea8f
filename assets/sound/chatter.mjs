/** What the crowd talks about. Ordinary words only: reversed, cut and laid over each other, none can be made out. */
export const CHATTER = [
  'I told her we would be there by seven, but the bus was late again, so we walked along the river.',
  'Can you move over a little? There are two more of us coming, and somebody has to hold the coats.',
  'My brother makes the best soup in town, and he never writes down what goes into the pot.',
  'They painted the whole hall last summer, and it still smells of paint behind the benches.',
  'If it rains on Sunday we can still play cards at home, and the children can build a tent.',
  'Who has the tickets? I gave them to you at the door, look in the other pocket of your jacket.',
  'She has been practising every morning before school, and you can really see it in her hands.',
  'Pass me the water, please. It gets warm in here as soon as the doors are closed.',
  'We parked behind the bakery, next to the old bridge, and now nobody remembers which street.',
  'Next year I would like to learn the trumpet, although my neighbours may not like the idea.',
  'Do you think there will be anything left to eat afterwards, or should we go somewhere else?',
  'He said it was only a short walk, and then it took us an hour and a half in the wind.',
];

/** Shouted between the vowels when it gets exciting. */
export const SHOUTS = ['Come on!', "Let's go!", 'You can do it!', 'Right now!', 'This is it!', 'Here we go!'];
