/**
 * A line told in words, one step a beat, for students who read slowly or cannot see the sheet. Tells what the writing
 * decided and adds nothing; knows nothing of pages or how a step is shown.
 */
package groundbass.walkthrough;
