/*
 * A Modbus TCP server for the tests, by libmodbus: prints its port, answers unit 1 until standard input ends.
 * Lines "input N V", "coil N V", "ireg N V", "hreg N V" set what it reads; so the tests play the unit.
 * usage: modbus-peer PORT (0 takes any)
 */
#include <errno.h>
#include <modbus.h>
#include <netinet/in.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/select.h>
#include <sys/socket.h>
#include <unistd.h>

int main(int argc, char **argv) {
	modbus_t *bus = modbus_new_tcp("127.0.0.1", argc > 1 ? atoi(argv[1]) : 0);
	modbus_mapping_t *map = modbus_mapping_new(200, 200, 200, 200);
	int listening = modbus_tcp_listen(bus, 20);
	if (listening < 0) {
		fprintf(stderr, "%s\n", modbus_strerror(errno));
		return 1;
	}
	struct sockaddr_in at;
	socklen_t size = sizeof at;
	getsockname(listening, (struct sockaddr *) &at, &size);
	printf("%d\n", ntohs(at.sin_port));
	fflush(stdout);
	fd_set open;
	FD_ZERO(&open);
	FD_SET(listening, &open);
	FD_SET(0, &open);
	int highest = listening;
	char line[100];
	size_t filled = 0;
	for (;;) {
		fd_set ready = open;
		if (select(highest + 1, &ready, NULL, NULL, NULL) < 0)
			return 1;
		for (int s = 0; s <= highest; s++) {
			if (!FD_ISSET(s, &ready))
				continue;
			if (s == 0) {
				char one;
				if (read(0, &one, 1) <= 0)
					return 0;
				if (one != '\n') {
					if (filled < sizeof line - 1)
						line[filled++] = one;
					continue;
				}
				line[filled] = 0;
				filled = 0;
				char table[10];
				int number, value;
				if (sscanf(line, "%9s %d %d", table, &number, &value) == 3 && number >= 0 && number < 200) {
					if (!strcmp(table, "input")) map->tab_input_bits[number] = value;
					if (!strcmp(table, "coil")) map->tab_bits[number] = value;
					if (!strcmp(table, "ireg")) map->tab_input_registers[number] = value;
					if (!strcmp(table, "hreg")) map->tab_registers[number] = value;
					printf("ok\n");
					fflush(stdout);
				}
			} else if (s == listening) {
				int fresh = accept(listening, NULL, NULL);
				if (fresh >= 0) {
					FD_SET(fresh, &open);
					if (fresh > highest)
						highest = fresh;
				}
			} else {
				uint8_t query[MODBUS_TCP_MAX_ADU_LENGTH];
				modbus_set_socket(bus, s);
				int length = modbus_receive(bus, query);
				if (length > 0) {
					/* Byte 6 is the unit id. As a gateway does, it leaves one that it does not know without an answer;
					   byte 7 is the function: anything but reading is told, so that the tests see it. */
					if (query[7] > 4) {
						printf("WRITE %d\n", query[7]);
						fflush(stdout);
					}
					if (query[6] == 1)
						modbus_reply(bus, query, length, map);
				} else if (length < 0) {
					close(s);
					FD_CLR(s, &open);
				}
			}
		}
	}
}
