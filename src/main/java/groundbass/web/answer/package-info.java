/** Answers made of stored bytes and files: validators, ranges, hand-over. Knows not whose bytes they are. */
package groundbass.web.answer;
