"""The front page and the exhibitor's face."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def front(request: HttpRequest) -> HttpResponse:
    return render(request, "home/front.html")
