/** Letters: the outbox that keeps them and the postman that sends them. Knows nothing of students, series or pages. */
package groundbass.post;
