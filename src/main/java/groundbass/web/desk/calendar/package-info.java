/** How an episode and its releases stand. Publishes nothing. */
package groundbass.web.desk.calendar;
