/** What an educator reads about the use of the lessons: pages and tables. Counts nothing itself and knows no SQL. */
package groundbass.web.statistics;
