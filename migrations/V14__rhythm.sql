-- When lessons of a series go out: from a first day on, every so many weeks at an hour of the series' zone, with breaks.
-- A series without a row has no rhythm. Portable: H2 and PostgreSQL run the same text.
create table series_rhythm (
    series_id varchar(16) not null primary key references series (id) on delete cascade,
    first_on  date        not null,
    at_time   varchar(5)  not null, -- local, as 17:00: an hour of the clock on the wall in every season
    weeks     integer     not null
);
create table series_break (
    series_id varchar(16) not null references series_rhythm (series_id) on delete cascade,
    free_on   date        not null,
    primary key (series_id, free_on)
);
