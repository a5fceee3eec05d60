/**
 * What the rooms of a lesson have in common: the list of them with what is to be done in each, saving as one types, two
 * windows, the way on. Knows what no room is about.
 */
package groundbass.web.desk.room;
