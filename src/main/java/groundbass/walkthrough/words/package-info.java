/** How a note, a sign, what holds and what opens a line are said, whatever is telling them: steps of a lesson or events. */
package groundbass.walkthrough.words;
