-- What is done with lessons on their pages, as sums: nothing in them is of anybody. Portable: H2 and PostgreSQL run the same
-- text.

-- "age": whole days since the lesson was brought out; from the 28th on, the first day of each four weeks. Of a lesson that is
-- read for ten years there are 158 ages, however many read it.
create table visit_sum (
    episode_id varchar(16) not null references episode (id) on delete cascade,
    kind       varchar(10) not null,
    age        integer     not null,
    visitors   bigint      not null,
    primary key (episode_id, kind, age)
);

-- How many played so many quarters of a line at least; 0 quarters are its first bar.
create table played_part (
    episode_id varchar(16) not null references episode (id) on delete cascade,
    line       varchar(20) not null,
    quarters   integer     not null check (quarters between 0 and 4),
    visitors   bigint      not null,
    primary key (episode_id, line, quarters)
);

-- How many repeated a passage with this bar in it.
create table looped_bar (
    episode_id varchar(16) not null references episode (id) on delete cascade,
    line       varchar(20) not null,
    bar        integer     not null,
    visitors   bigint      not null,
    primary key (episode_id, line, bar)
);

-- How many followed a link to a course; of an address that the lesson names no more they are kept.
create table course_click (
    episode_id varchar(16)   not null references episode (id) on delete cascade,
    address    varchar(2000) not null,
    visitors   bigint        not null,
    primary key (episode_id, address)
);
